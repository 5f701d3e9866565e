/** Where a text is pasted or a file opened; what is going on with it, and what went wrong. */
import type { ReadonlySignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';

interface Props {
  /** Before the ids of the two entries, where a page has several: “lifters-”. */
  readonly prefix?: string;
  readonly label: string;
  /** What may be pasted. */
  readonly children: ComponentChildren;
  readonly rows: number;
  /** File endings and media types, as the attribute has them. */
  readonly accept: string;
  readonly opening: {
    readonly text: ReadonlySignal<string>;
    readonly note: ReadonlySignal<string>;
    readonly problem: ReadonlySignal<string | null>;
    readonly open: (file: File) => unknown;
  };
  readonly onText: (text: string) => void;
}

export function PasteEntry({ prefix = '', label, children, rows, accept, opening, onText }: Props) {
  const [pasted, opened] = [`${prefix}pasted`, `${prefix}opened`];
  return (
    <>
      <div class="control">
        <label for={pasted}>{label}</label>
        <textarea
          id={pasted}
          rows={rows}
          spellcheck={false}
          autocomplete="off"
          value={opening.text.value}
          onInput={(event) => onText(event.currentTarget.value)}
          aria-describedby={`${pasted}-help`}
        />
        <span class="help" id={`${pasted}-help`}>
          {children}
        </span>
        <label class="file">
          <span>Or open a file</span>
          <input
            type="file"
            id={opened}
            accept={accept}
            onChange={(event) => {
              const [file] = event.currentTarget.files ?? [];
              if (file) void opening.open(file);
              event.currentTarget.value = '';
            }}
          />
        </label>
      </div>
      <p role="status">{opening.note.value}</p>
      {opening.problem.value !== null && (
        <p class="problem" role="alert">
          {opening.problem.value}
        </p>
      )}
    </>
  );
}
