// big.js ships no types; these are the few that the tests use.
declare module 'big.js' {
  interface Big {
    plus(x: Big | string): Big;
    minus(x: Big | string): Big;
    times(x: Big | string): Big;
    div(x: Big | string): Big;
    cmp(x: Big | string): number;
    round(places: number, mode: number): Big;
    toFixed(places?: number): string;
  }
  interface BigConstructor {
    new (x: string): Big;
    (): BigConstructor;
    DP: number;
    roundHalfUp: number;
  }
  const Big: BigConstructor;
  export default Big;
}
