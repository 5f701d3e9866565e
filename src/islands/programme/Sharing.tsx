/**
 * A version as it is sent to the athlete: the message, shared or copied, and the file. Loaded when it is first asked
 * for.
 */
import { useEffect, useState } from 'preact/hooks';
import { nameLines } from '../../numerics/countOf.ts';
import { type AthleteLine, findToLookAt, sayTold, writeForAthlete } from '../../practice/programme/athleteText.ts';
import { weekOfDay } from '../../practice/programme/columns.ts';
import { copyText } from '../../ui/copyText.ts';
import { saveFile } from '../../ui/saveFile.ts';
import type { VersionName } from './editing.state.ts';
import type { ProgrammeState } from './programme.state.ts';

interface Props {
  readonly state: ProgrammeState;
  readonly which: VersionName;
  readonly numberOf: (line: number) => number;
  readonly onClose: () => void;
}

export function Sharing({ state, which, numberOf, onClose }: Props) {
  const { report, of } = state.checking.made.value;
  const check = state.checking.pending.value ? null : (report[which]?.check ?? null);
  const lines = linesOf(state, which);
  const weeks = [...new Set(lines.map(({ checked }) => weekOfDay(checked.line.day)))].sort((a, b) => a - b);
  const [week, setWeek] = useState<number | null>(weeks.length > 1 ? weeks[0] : null);
  const [done, setDone] = useState('');
  const text = writeForAthlete(lines, { week, event: of.input.calendar.event });
  const send = async () => setDone(await sendText(text, sayTold(lines, week)));
  // One press of the button that opened it: the message is sent on its way at once.
  useEffect(() => {
    if (check) void send();
  }, []);
  const { unsafe, questioned } = findToLookAt(check?.lines ?? [], numberOf);
  const id = `sharing-${which}`;
  return (
    <section class="sharing" aria-labelledby={id}>
      <h3 id={id} tabIndex={-1}>
        For the athlete
      </h3>
      {!check && (
        <p class="problem">The message waits until every line is whole: part of a programme is another one.</p>
      )}
      {check && (
        <>
          <p role="status">{done}</p>
          {unsafe.length + questioned.length > 0 && (
            <p class="problem">
              {unsafe.length > 0 && `Not safe as written: ${nameLines(unsafe)}; the message says “not alone” there. `}
              {questioned.length > 0 &&
                `More repetitions than expected: ${nameLines(questioned)}; there it says to ask you. `}
              Mend them, or apply the advice, before you send it.
            </p>
          )}
          {weeks.length > 1 && (
            <div class="control">
              <label for={`${id}-week`}>Weeks of the message</label>
              <select
                id={`${id}-week`}
                value={week ?? ALL}
                onChange={({ currentTarget: { value } }) => {
                  setWeek(value === ALL ? null : Number(value));
                  setDone('');
                }}
              >
                {weeks.map((one) => (
                  <option key={one} value={one}>
                    week {one}
                  </option>
                ))}
                <option value={ALL}>all weeks</option>
              </select>
            </div>
          )}
          <div class="control">
            <label for={`${id}-text`}>The message</label>
            <textarea id={`${id}-text`} rows={12} readOnly value={text} />
          </div>
          <p class="buttons">
            <button type="button" onClick={() => void send()}>
              {canShare({ text }) ? 'Share the message' : 'Copy the message'}
            </button>
            <button
              type="button"
              onClick={() => saveFile({ name: 'training.txt', type: 'text/plain;charset=utf-8', text })}
            >
              Save it as a text file
            </button>
            <button type="button" onClick={() => void sendFile(state, setDone)}>
              {canShare({ files: [programmeFile(state)] }) ? 'Share the file' : 'Save the file'}
            </button>
            <button type="button" onClick={onClose}>
              Close
            </button>
          </p>
          <p class="small">
            The file opens on this page under “Paste or open”, on any device, as it stands here: both versions with all
            weeks, exercises that you described, the event. Lifters and their 1RM are not in it, nor a table of studies
            of your own.
          </p>
        </>
      )}
    </section>
  );
}

const ALL = 'all';

function linesOf(state: ProgrammeState, which: VersionName): readonly AthleteLine[] {
  const { report, of } = state.checking.made.value;
  const ids = new Map(of[which]?.lines.map(({ id, line }) => [line, id]));
  const cells = new Map(state.draft.value[which]?.lines.map((line) => [line.id, line.cells]));
  return (report[which]?.check?.lines ?? []).flatMap((checked) => {
    const own = cells.get(ids.get(checked.line.line) ?? 0);
    return own ? [{ checked, cells: own }] : [];
  });
}

function programmeFile(state: ProgrammeState): File {
  const { name, type, text } = state.savedFile();
  return new File([text], name, { type });
}

function canShare(data: ShareData): boolean {
  return 'share' in navigator && 'canShare' in navigator && navigator.canShare(data);
}

/** What was done with the message, as a sentence. */
async function sendText(text: string, told: string): Promise<string> {
  if (canShare({ text })) {
    const isShared = await share({ text });
    if (isShared !== null) return isShared ? `Shared: ${told}.` : 'Not shared.';
  }
  return (await copyText(text))
    ? `Copied: ${told}. Paste it into a message.`
    : 'This browser does not let a page copy: take the message from below.';
}

async function sendFile(state: ProgrammeState, say: (words: string) => void): Promise<void> {
  const file = programmeFile(state);
  if (canShare({ files: [file] })) {
    const isShared = await share({ files: [file] });
    if (isShared !== null) {
      say(isShared ? `Shared: ${file.name}.` : 'Not shared.');
      return;
    }
  }
  state.save();
  say(`Saved: ${file.name}.`);
}

/** False where the reader put the sheet away; null where the browser does not let this page share after all. */
async function share(data: ShareData): Promise<boolean | null> {
  try {
    await navigator.share(data);
    return true;
  } catch (error) {
    return error instanceof DOMException && error.name === 'AbortError' ? false : null;
  }
}
