// The little of culori that the colour tests use.
declare module 'culori' {
  export function wcagContrast(a: string, b: string): number;
  export interface Colour {
    mode: string;
  }
  export function converter(mode: 'lab65'): (colour: string) => Colour | undefined;
  export function differenceCiede2000(): (a: Colour, b: Colour) => number;
}
