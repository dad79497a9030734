// Where in a published episode something was said.
const timeMark = /^(?:\d+:[0-5]\d|[0-5]?\d):[0-5]\d$/;

/** "3:12" and "1:02:03"; a time with 60 seconds or more is none. Text that is no time is a place of its own: "thumbnail". */
export function whereFault(text: string): string | undefined {
  const t = text.trim();
  if (t === '') return 'where it was said is empty; write a time mark (3:12), thumbnail, description …';
  if (!/^[\d:.]+$/.test(t) || timeMark.test(t) || /^\d+:[0-5]\d$/.test(t)) return undefined;
  return `"${text}" is no time mark; write minutes and seconds (3:12), or hours before them (1:02:03)`;
}
