import type { AlarmTransition } from '../evaluation/pipeline/outputs';
import type { Pipeline } from '../evaluation/pipeline/pipeline';
import { transitionFacts, type TransitionFacts } from '../evaluation/pipeline/transition-facts';
import type { AlarmJournal } from '../ports/alarm-journal';

/**
 * The same journal, told of each change of an alarm also what it is judged by: quality, class, operating position. They are
 * looked at when the change is first told, which is when it happens; where the journal refuses, the same goes with it later.
 */
export function journalWithFacts(journal: AlarmJournal, pipeline: Pick<Pipeline, 'site' | 'state'>): AlarmJournal {
  const known = new WeakMap<AlarmTransition, TransitionFacts>();
  const factsOf = (transition: AlarmTransition): TransitionFacts => {
    const facts = known.get(transition) ?? transitionFacts(pipeline.site, pipeline.state, transition);
    known.set(transition, facts);
    return facts;
  };
  const append: AlarmJournal['append'] = (transitions, records, wallMs) =>
    journal.append(
      transitions.map((transition) => ({ ...transition, ...factsOf(transition) })),
      records,
      wallMs,
    );
  return new Proxy(journal, {
    get(target, key) {
      if (key === 'append') return append;
      const member = Reflect.get(target, key) as unknown;
      return typeof member === 'function' ? (member.bind(target) as unknown) : member;
    },
  });
}
