/** The registry of plastics: names that a preset may use become types. */
import { abs } from './abs.js';
import { asa } from './asa.js';
import { pa12 } from './pa12.js';
import { pc } from './pc.js';
import { petg } from './petg.js';
import { pla } from './pla.js';
import type { Plastic } from './plastic.js';
import { pp } from './pp.js';

export const plastics = { pla, petg, abs, asa, pa12, pc, pp } as const satisfies Record<string, Plastic>;
