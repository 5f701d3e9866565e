/** What is taken away of the plans: a text for a protocol, and files that hold or repeat the numbers. */
import { useState } from 'preact/hooks';
import { type FileContext, type NamedAnswer, writePlanCsv, writePlanJson } from '../../figures/plan/planFiles.ts';
import { PLAN_NAMES } from '../../figures/plan/planWords.ts';
import { writeProtocol, writeProtocols } from '../../figures/plan/protocol.ts';
import { copyText } from '../../ui/copyText.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { Trouble } from '../../ui/Trouble.tsx';
import type { PlanState } from './plan.state.ts';

interface Props {
  readonly state: PlanState;
  /** Name of the file of the table that is read. */
  readonly tableName: string;
}

export function TakeAway({ state, tableName }: Props) {
  const { facts, dataVersion } = state.answers.opened.value;
  const answers = PLAN_NAMES.flatMap((name): NamedAnswer[] => {
    const answer = state.answers.answers.value[name];
    return answer ? [{ name, answer }] : [];
  });
  const without = Object.keys(state.answers.failed.value);
  const context: FileContext = {
    table: tableName,
    dataVersion,
    isDemonstration: facts.isDemonstration,
    address: state.link.value,
  };
  // A file of plans that are still being worked out would hold others than the page shows.
  const isReady = !state.answers.pending.value && answers.length > 0;
  const save = (make: () => void) => () => isReady && make();
  return (
    <section class="panel">
      <h2>Take it home</h2>
      <p>
        A text for a protocol, the numbers, and scripts that work them out again: today’s fit from its rows, the study’s
        outcomes, each outcome’s interval and the medians, beside the site’s (base R; numpy and scipy).
      </p>
      {without.length > 0 && <p>Without plan {without.join(' and ')}, of which nothing could be worked out.</p>}
      {answers.map(({ name, answer }) => (
        <ProtocolText key={name} name={name} text={writeProtocol(facts, answer, context)} />
      ))}
      <div class="buttons">
        <button
          type="button"
          aria-disabled={!isReady}
          onClick={save(() => saveFile(writeProtocols(facts, answers, context)))}
        >
          Text for a protocol
        </button>
        <button
          type="button"
          aria-disabled={!isReady}
          onClick={save(() => saveFile(writePlanJson(facts, answers, context)))}
        >
          Plans as JSON
        </button>
        <button
          type="button"
          aria-disabled={!isReady}
          onClick={save(() => saveFile(writePlanCsv(facts, answers, context)))}
        >
          Plans as CSV
        </button>
        <button type="button" aria-disabled={!isReady} onClick={save(() => state.saveScript('.R', answers, context))}>
          Script for R
        </button>
        <button type="button" aria-disabled={!isReady} onClick={save(() => state.saveScript('.py', answers, context))}>
          Script for Python
        </button>
      </div>
      <Trouble what="The file could not be made" reason={state.fileProblem.value} />
    </section>
  );
}

/** Folded away: it is long, and for those who write one. */
function ProtocolText({ name, text }: { readonly name: string; readonly text: string }) {
  const [said, setSaid] = useState('');
  const copy = async () => {
    setSaid(
      (await copyText(text)) ? 'Copied.' : 'This browser does not let a page copy; mark the text and copy it yourself.',
    );
  };
  return (
    <details>
      <summary>Text for a protocol, plan {name}</summary>
      <div class="protocol">
        {text.split('\n\n').map((paragraph) => (
          <p key={paragraph}>{paragraph}</p>
        ))}
      </div>
      <p class="buttons">
        <button type="button" class="inline" onClick={copy}>
          Copy<span class="unseen"> the text of plan {name}</span>
        </button>
        <span role="status" class="small">
          {said}
        </span>
      </p>
    </details>
  );
}
