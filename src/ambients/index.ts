/** The registry of surroundings: names that a preset may use become types. */
import type { Ambient } from './ambient.js';
import { lamps } from './lamps.js';
import { sun } from './sun.js';
import { window } from './window.js';

export const ambients = { lamps, window, sun } as const satisfies Record<string, Ambient>;
