// Markup inside a line that nobody reads aloud: tags, addresses, comments, entities. Blanks take its place, so that offsets hold.

const unsaid = /<!--[\s\S]*?(?:-->|$)|<(?:\/?[a-zA-Z][^<>\n]*|\/|\d\d:[\d:.]+)>|(?<=\])\([^()\s]*(?:\s+"[^"]*")?\)|\bhttps?:\/\/[^\s<>()]+|&(?:amp|lt|gt|nbsp|lrm|rlm|quot|#\d{1,7});/g;
const some = /<[!/\w]|\]\(|https?:|&[#a-z]/;

/** The same length as the text. */
export function withoutMarkup(text: string): string {
  if (!some.test(text)) return text;
  return text.replace(unsaid, (m) => (m === '&amp;' ? '&' : ' ').padEnd(m.length));
}
