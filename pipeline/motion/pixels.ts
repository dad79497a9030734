// Outlined SVG to plain pixels, and pixels to still images. sharp is imported when the first is needed.
type Sharp = (typeof import('sharp'))['default'];
let engine: Promise<Sharp> | undefined;

async function load(): Promise<Sharp> {
  const sharp = (await import('sharp')).default;
  sharp.cache(false);
  return sharp;
}

const mostPixels = 3840 * 2160;

/** Straight RGBA, 8 bits. */
export async function pixelsOf(svg: string): Promise<Buffer> {
  if (/<text[\s>]/.test(svg)) throw new Error('a frame still holds text that was not turned into outlines');
  const sharp = await (engine ??= load());
  return sharp(Buffer.from(svg), { limitInputPixels: mostPixels }).timeout({ seconds: 60 }).ensureAlpha().raw().toBuffer();
}

export async function pngOf(pixels: Buffer, width: number, height: number): Promise<Buffer> {
  const sharp = await (engine ??= load());
  return sharp(pixels, { raw: { width, height, channels: 4 } }).png({ compressionLevel: 6, adaptiveFiltering: false, palette: false }).toBuffer();
}

/** Lossless to the last bit, those of transparent pixels included. */
export async function webpOf(pixels: Buffer, width: number, height: number): Promise<Buffer> {
  const sharp = await (engine ??= load());
  return sharp(pixels, { raw: { width, height, channels: 4 } }).webp({ lossless: true, exact: true, effort: 4 }).toBuffer();
}
