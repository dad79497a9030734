export { type ContactSheet, renderContactSheet, type SheetPicture } from './contact-sheet.js';
export { type EpisodePage, renderPage } from './episode-page.js';
export { type IndexCard, type IndexPage, renderIndex } from './index-page.js';
export { writeReadings as readingsCsv } from '../facts/index.js';
export type { PagePicture } from './pictures.js';
export type { TemplateReader } from './templates.js';
