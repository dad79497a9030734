// All sentences that an episode's facts give, in the order in which an episode tells them.
import { type Facts, splitKey } from '../facts/index.js';
import { timeConstants } from './kinds/approaches.js';
import { quoted, setAside } from './kinds/aside.js';
import { betweenSettings, betweenSetups } from './kinds/comparisons.js';
import { conditions } from './kinds/conditions.js';
import { efficiency } from './kinds/efficiency.js';
import { allowances, limits } from './kinds/limits.js';
import { corrected, overRoom } from './kinds/over-room.js';
import { rankings } from './kinds/rankings.js';
import { rises } from './kinds/rises.js';
import { throttling } from './kinds/throttling.js';
import { values } from './kinds/values.js';
import { type Scene, Stage } from './scenes.js';
import { capital, type Draft, finish, type Sentence, speakingTime } from './sentence.js';
import { Voice, type VoiceOptions } from './voice.js';

/** Each sentence names its own subject, so that any one of them can be lifted into a script. */
export function narrate(facts: Facts, options: Partial<VoiceOptions> = {}): Sentence[] {
  const stage = new Stage(facts);
  const drafts = [
    ...conditions(stage),
    ...allowances(stage),
    ...stage.scenes.flatMap((scene) => told(stage, scene)),
    ...betweenSetups(stage),
    ...betweenSettings(stage),
    ...rankings(stage),
    ...setAside(stage),
    ...quoted(stage),
  ];
  const asked = new Voice({ form: 'words', ...options });
  const spelled = new Voice({ ...options, form: 'words' });
  const sentences = gathered(drafts).map((d) => ({
    section: d.section,
    text: finish(d.text(asked)),
    facts: [...new Set(d.facts.map((f) => f.id))],
    seconds: speakingTime(finish(d.text(spelled))),
    ...measureOf(d),
    ...(d.result && { result: d.result }),
  }));
  return sentences.filter((s, i) => sentences.findIndex((t) => t.text === s.text) === i);
}

function measureOf({ facts }: Draft): { measure?: string } {
  const measure = facts.map((f) => (f.kind === 'count' ? undefined : splitKey(f.subject)?.measure)).find((m) => m);
  return measure ? { measure } : {};
}

function told(stage: Stage, scene: Scene): Draft[] {
  const section = capital(stage.where(scene) || 'What was measured');
  return [rises, values, limits, throttling, overRoom, corrected, timeConstants, efficiency].flatMap((kind) => kind(stage, scene, section));
}

/** Sentences of one section stand together, sections in the order of their first sentence. */
function gathered(drafts: Draft[]): Draft[] {
  const sections = new Map<string, Draft[]>();
  for (const d of drafts) sections.set(d.section, [...(sections.get(d.section) ?? []), d]);
  return [...sections.values()].flat();
}
