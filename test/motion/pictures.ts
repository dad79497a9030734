// Pictures with every role in them, as the renderers write them: text as text, and the same outlined.
import { outline } from '../../pipeline/theme/outline.js';

const text = (x: number, y: number, size: number, words: string, more = ''): string => `<text x="${x}" y="${y}" font-family="Inter, sans-serif" font-size="${size}" font-weight="700" fill="#f4f7fa"${more}>${words}</text>`;
const tabular = ' font-feature-settings="tnum"';
const rows = [['Alder', 212.5], ['Birch', 433.25], ['Cedar', 611], ['Damson', 1000]] as const;

/** Rows with bars of these lengths; the last is the longest. */
export const lengths = rows.map(([, length]) => length);

const head = '<svg xmlns="http://www.w3.org/2000/svg" width="1920" height="1080" viewBox="0 0 1920 1080" role="img" aria-labelledby="title alt"><title id="title">Noise &amp; more</title><desc id="alt">In words.</desc>';
const panel = '<rect x="40" y="40" width="1840" height="1000" rx="14" fill="#0f151d" fill-opacity="0.9"/>';

const ranked = `${head}${panel}${text(104, 150, 64, 'Noise, load')}${text(104, 220, 44, 'dB(A) · lower is better')}`
  + `<g transform="translate(420,263)"><g class="mark-rule"><line transform="translate(500,0)" x2="0" y2="560" stroke="#46566a" stroke-width="2" data-build="scale"/></g>`
  + `<g data-build="bars" data-zero="x 0">${rows.map(([, length], i) => `<path d="M0,${i * 140}h${length}v80h${-length}Z" fill="#5f87b8"/>`).join('')}</g></g>`
  + rows.map(([name, length], i) => text(104, 263 + i * 140 + 60, 50, name) + text(440 + length, 263 + i * 140 + 60, 52, String(length), tabular)).join('')
  + `<g transform="translate(960 540) rotate(-14)" data-build="panel">${text(-300, 100, 240, 'DRAFT', ' fill-opacity="0.3"')}</g></svg>`;

const overTime = `${head}${panel}${text(104, 150, 64, 'Core over time')}<g transform="translate(200,300)">`
  + `<g data-build="line" data-span="0 1500"><path d="M0,500${Array.from({ length: 300 }, (_, i) => `L${(i + 1) * 5},${(250 + 240 * Math.cos(i / 23)).toFixed(2)}`).join('')}" fill="none" stroke="#ffb53d" stroke-width="5" stroke-linejoin="round"/></g>`
  + `<circle cx="1500" cy="400" r="18" fill="#c4d6ea" stroke="#0f151d" stroke-width="4"/></g>${text(300, 290, 52, 'Load 66 °C', tabular)}</svg>`;

const lowerLeft = `${head}<rect x="40" y="620" width="900" height="420" rx="14" fill="#0f151d" fill-opacity="0.9"/>${text(104, 720, 50, 'Core temperature, rise')}`
  + `${text(96, 900, 208, '32', ' data-build="figures"')}${text(420, 900, 104, 'K', ' data-build="figures"')}${text(104, 984, 44, 'From 34 °C to 66 °C', ' data-build="figures"')}</svg>`;

const steps = `${head}${panel}${text(104, 200, 64, 'Before and after')}${text(104, 500, 132, '75', ' data-build="first"')}`
  + `<path data-build="second" d="M420 450H700m-26 -26l26 26l-26 26" fill="none" stroke="#c2ccd8" stroke-width="8" stroke-linecap="round"/>${text(760, 500, 132, '66', ' data-build="third"')}${text(1300, 500, 132, '−9 K', ' data-build="figures"')}</svg>`;

export const pictures = { ranked, overTime, lowerLeft, steps };
export const outlined = Object.fromEntries(Object.entries(pictures).map(([name, svg]) => [name, outline(svg)])) as Record<keyof typeof pictures, string>;
