// Films with alpha, made by ffmpeg from plain frames. Equal frames give equal bytes.
import type { MovieFormat } from '../theme/index.js';

const films: Record<MovieFormat, readonly string[]> = {
  // Animation codec with alpha: exact, and read by editing programs.
  mov: ['-c:v', 'qtrle', '-pix_fmt', 'argb'],
  // Alpha is a stream beside the picture, which needs the alternate reference frames off; colours tagged as they are coded.
  webm: [
    '-vf', 'scale=out_color_matrix=bt709:out_range=tv', '-c:v', 'libvpx-vp9', '-pix_fmt', 'yuva420p', '-auto-alt-ref', '0',
    '-deadline', 'realtime', '-cpu-used', '8', '-crf', '20', '-b:v', '0', '-threads', '1', '-row-mt', '0',
    '-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709', '-color_range', 'tv',
  ],
};

/** Arguments of ffmpeg that turn straight RGBA frames on its standard input into a film at `out`. */
export function movieArguments(format: MovieFormat, width: number, height: number, rate: number, out: string): string[] {
  return [
    '-hide_banner', '-loglevel', 'error', '-nostdin', '-f', 'rawvideo', '-pix_fmt', 'rgba', '-s', `${width}x${height}`, '-r', String(rate), '-i', 'pipe:0',
    ...films[format], '-an', '-map_metadata', '-1', '-fflags', '+bitexact', '-flags:v', '+bitexact', '-y', out,
  ];
}
