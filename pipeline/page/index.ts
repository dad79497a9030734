export { type EpisodePage, renderPage } from './episode-page.js';
export { type IndexCard, type IndexPage, renderIndex } from './index-page.js';
export { writeReadings as readingsCsv } from '../facts/index.js';
export type { PagePicture } from './pictures.js';
export type { TemplateReader } from './templates.js';
