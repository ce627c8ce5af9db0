/** The registries of bought parts: names that a preset may use become types. */
import { barrel6x10 } from './emitter-barrel-6x10.js';
import { barrel6x12 } from './emitter-barrel-6x12.js';
import { barrel6x12Infrared } from './emitter-barrel-6x12-infrared.js';
import { barrel8x13 } from './emitter-barrel-8x13.js';
import { led3Red } from './emitter-led-3-red.js';
import { led5Infrared } from './emitter-led-5-infrared.js';
import { led5Red } from './emitter-led-5-red.js';
import type { Module } from './module.js';
import { batteryHolder } from './module-battery-holder.js';
import { batteryPouch } from './module-battery-pouch.js';
import { charger } from './module-charger.js';
import { controller } from './module-controller.js';
import { converter } from './module-converter.js';
import { display } from './module-display.js';
import { lamp } from './module-lamp.js';
import { multiplexer } from './module-multiplexer.js';
import { radio } from './module-radio.js';
import { slideSwitch } from './module-switch.js';
import { pin2 } from './pin-2.js';
import { pin3 } from './pin-3.js';
import { sideLooker } from './receiver-side-looker.js';
import { sideLookerFiltered } from './receiver-side-looker-filtered.js';
import { threeLeg } from './receiver-three-leg.js';
import { threeLegFormed } from './receiver-three-leg-formed.js';
import { m2 } from './thread-m2.js';
import { m2_5 } from './thread-m2-5.js';
import { m3 } from './thread-m3.js';
import { m4 } from './thread-m4.js';
import type { Emitter, Pin, Receiver, ScrewSize, Thread } from './types.js';

export { hexKeyFor, keys } from './keys.js';

export const emitters = {
  'barrel-6x12': barrel6x12,
  'barrel-6x10': barrel6x10,
  'barrel-8x13': barrel8x13,
  'barrel-6x12-infrared': barrel6x12Infrared,
  'led-3-red': led3Red,
  'led-5-red': led5Red,
  'led-5-infrared': led5Infrared,
} as const satisfies Record<string, Emitter>;

export const receivers = {
  'three-leg': threeLeg,
  'three-leg-formed': threeLegFormed,
  'side-looker': sideLooker,
  'side-looker-filtered': sideLookerFiltered,
} as const satisfies Record<string, Receiver>;

export const threads = { M2: m2, 'M2.5': m2_5, M3: m3, M4: m4 } as const satisfies Record<ScrewSize, Thread>;

/** Parallel pins by diameter [mm]. */
export const pins = { '2': pin2, '3': pin3 } as const satisfies Record<string, Pin>;

/** What the electronics bay may hold: generic outlines. */
export const modules = {
  controller,
  multiplexer,
  radio,
  display,
  charger,
  converter,
  switch: slideSwitch,
  lamp,
  'battery-pouch': batteryPouch,
  'battery-holder': batteryHolder,
} as const satisfies Record<string, Module>;
