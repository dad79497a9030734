// The words of motion: how a picture comes and goes, and the files that are made of it.

export const builds = ['in', 'in-out', 'out'] as const;
export type Build = (typeof builds)[number];

/** Made by the program itself, and those that ffmpeg makes. */
export const ownFormats = ['webp', 'png'] as const;
const movieFormats = ['mov', 'webm'] as const;
export type MovieFormat = (typeof movieFormats)[number];
export const motionFormats = [...ownFormats, ...movieFormats] as const;
export type MotionFormat = (typeof motionFormats)[number];

export function isMovie(format: MotionFormat): format is MovieFormat {
  return (movieFormats as readonly string[]).includes(format);
}

/** An SVG without the marks of motion, which mean nothing outside of this program. */
export function withoutBuild(svg: string): string {
  return svg.replace(/ data-(?:build|zero|span)="[^"]*"/g, '');
}
