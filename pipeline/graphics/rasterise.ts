// Outlined SVG to PNG. sharp is imported when the first picture is drawn.

/** As many as a 3840×2160 picture has. */
const mostPixels = 3840 * 2160;
const mostBytes = 8_000_000;
type Sharp = (typeof import('sharp'))['default'];
let engine: Promise<Sharp> | undefined;

async function load(): Promise<Sharp> {
  const sharp = (await import('sharp')).default;
  sharp.cache(false);
  return sharp;
}

/** A PNG with alpha, 8 bits a channel. Throws on text that was not outlined: its pixels would depend on the fonts of the machine. */
export async function rasterise(svg: string, width: number, height: number): Promise<Buffer> {
  if (/<text[\s>]/.test(svg)) throw new Error('a picture still holds text that was not turned into outlines');
  if (svg.length > mostBytes) throw new Error(`a picture of ${svg.length} bytes is more than any should need`);
  const sized = svg.replace(/^(<svg[^>]*?) width="[^"]*" height="[^"]*"/, `$1 width="${width}" height="${height}"`);
  const sharp = await (engine ??= load());
  return sharp(Buffer.from(sized), { limitInputPixels: mostPixels })
    .timeout({ seconds: 60 })
    .png({ compressionLevel: 6, adaptiveFiltering: false, palette: false })
    .toBuffer();
}
