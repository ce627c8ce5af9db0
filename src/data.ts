/** A sourced figure. `source` says where the number comes from and how sure it is (from memory, common practice …). */
export interface Datum<T = number> {
  readonly value: T;
  readonly source: string;
}
