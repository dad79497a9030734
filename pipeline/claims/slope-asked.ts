// "What does an extra frame cost? 7.7 watts.": the answer is a slope, of which the record has no reading.
const asked = /\b(?:an?|each|every|one) (?:extra|additional|further|more) \p{L}+\b[^?]*\b(?:costs?|takes?|needs?)\b[^?]*\?\s*$|\b(?:costs?|pay)\b[^?]*\b(?:an?|each|every|one|per) (?:extra|additional|further|more) \p{L}+[^?]*\?\s*$/iu;

export function answersSlope(question: string, text: string): boolean {
  return text.length < 80 && question.trimEnd().endsWith('?') && text.trim().split(/\s+/).length <= 7 && asked.test(question);
}
