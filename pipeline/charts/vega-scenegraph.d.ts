// The one part of vega-scenegraph that is used: its text measuring, which version 6 lets be replaced.
declare module 'vega-scenegraph' {
  export const textMetrics: {
    width(item: { fontSize?: number; fontWeight?: number | string; text?: unknown }, text?: unknown): number;
  };
}
