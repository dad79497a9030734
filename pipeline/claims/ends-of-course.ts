// "From slow to brisk the hum climbs from 31 to 38": the one figure is of where the change starts, the other of where it ends.
import type { Course } from './evidence.js';
import type { Parsed } from './parse.js';

/** What "from … to …" between two numbers pairs them with, by index. */
export function endsOfCourse(p: Parsed, course: Course): { index: number; slot: number; value: string }[] {
  const { said, low } = p;
  for (let i = 0; i + 1 < said.length; i++) {
    const [a, b] = [said[i]!.mention, said[i + 1]!.mention];
    if (a.type !== 'cardinal' || b.type !== 'cardinal' || said[i]!.named || said[i + 1]!.named || low[a.from - 1] !== 'from' || low[b.from - 1] !== 'to' || b.from - a.to > 3) continue;
    return [{ index: i, slot: course.slot, value: course.from }, { index: i + 1, slot: course.slot, value: course.to }];
  }
  return [];
}
