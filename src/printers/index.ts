/** The registry of printers: names that a preset may use become types. */
import { bed180 } from './bed-180.js';
import { bed220 } from './bed-220.js';
import { bed220Fine } from './bed-220-fine.js';
import { bed300 } from './bed-300.js';
import type { Printer } from './printer.js';

export const printers = {
  'bed-220': bed220,
  'bed-180': bed180,
  'bed-300': bed300,
  'bed-220-fine': bed220Fine,
} as const satisfies Record<string, Printer>;
