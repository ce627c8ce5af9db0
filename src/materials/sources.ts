/** Where the plastics' figures come from, in words used more than once. */

/** Two filament makers' data sheets, ISO 527 / 178 / 75 on printed specimens. */
export const sheets = (figures: string): string =>
  `Filament makers' data sheets for printed specimens (ISO 527, 178, 75), as quoted in public notes: ${figures}`;

export const memory = (figures: string): string => `From memory, handbook range ${figures}; the figure taken is ours`;

export const SHORT_TERM = 'Planning value for minutes under load, from memory of snap-fit design guides';
export const SUSTAINED =
  'Planning value for years under load, from memory of design guides for creep; not measured on prints';
export const ACROSS =
  'Planning value: .3 unless measured. Published ratios for printed parts scatter widely (Rodríguez-Panes et al., Materials 2018; doi 10.1089/3dp.2020.0109)';
export const CREEP =
  'Planning value in Findley’s law (Findley, Lai & Onaran 1976): no coefficients of the printed plastic were found; replace it by a coupon’s';
export const EXPANSION = (range: string): string =>
  `Kousiatza, Materials 17(18) 4668 (2024), printed parts, and Crawford, Plastics Engineering, Table 1.8: ${range} · 1e-6; middle taken`;
export const POISSON = 'From memory, handbook value of the moulded plastic';
