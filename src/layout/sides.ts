/** The panel's four sides, and what the rail along one holds. */

export type Side = 'far' | 'near' | 'left' | 'right';
export const SIDES: readonly Side[] = ['far', 'near', 'left', 'right'];

export type RailKind = 'emitter' | 'receiver';
