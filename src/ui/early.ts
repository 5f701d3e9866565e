/**
 * What a reader does to an island before it has started: what was written, chosen, ticked, pressed or opened is done once
 * the island answers. By itself it would be lost, and a field would go on showing what nothing has read, since what starts an
 * island takes it for granted that its fields stand as the build drew them.
 */

type Field = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

const FIELDS = 'input, select, textarea';
/** Milliseconds until effects have run: the library’s own go 35 ms after what they follow where no frame is painted. */
const UNTIL_EFFECTS = 50;

interface Act {
  /** Value of a field, whether a box is ticked or a fold open; empty for a button. */
  readonly entered: string;
  /** Whether the island answered already: then it is only to be seen that what it reads at first has not overtaken it. */
  readonly isAnswered: boolean;
}

/** Fields, buttons and folds that were acted on, in the order of the last act on each. */
const acted = new Map<Element, Act>();
/** Islands that are being started. */
const starting = new Set<Element>();

/** Begins to watch; called once, before the first island is there. */
export function watchEarly(): void {
  for (const name of ['input', 'change', 'click']) document.addEventListener(name, note, true);
  for (const name of ['dragover', 'drop'] as const) document.addEventListener(name, takeDropped, true);
}

/** A file that is dropped where one can be is as one that was chosen; else the browser would open it in the page’s place. */
function takeDropped(event: DragEvent): void {
  // Firefox tells of the text that it is dropped on.
  const on = event.target instanceof Text ? event.target.parentElement : (event.target as Element);
  const field = on?.closest?.('.drop')?.querySelector<HTMLInputElement>('input[type=file]');
  if (!field?.closest('astro-island')?.hasAttribute('ssr')) return;
  event.preventDefault();
  if (event.type === 'dragover' || !event.dataTransfer?.files.length) return;
  field.files = event.dataTransfer.files;
  acted.delete(field);
  acted.set(field, { entered: read(field), isAnswered: false });
}

function note(event: Event): void {
  const found = (event.target as Element).closest?.(event.type === 'click' ? 'button, summary' : FIELDS);
  const one = found?.matches('summary') ? found.parentElement : found;
  const island = one?.closest('astro-island');
  if (!one || !island || !(starting.has(island) || island.hasAttribute('ssr'))) return;
  const isAnswered = !island.hasAttribute('ssr');
  if (isAnswered && !isField(one)) return;
  if (!isAnswered) event.stopImmediatePropagation();
  acted.delete(one);
  // A fold is not open yet when it is pressed.
  acted.set(one, { entered: isField(one) ? read(one) : isFold(one) ? String(!one.open) : '', isAnswered });
}

/**
 * Right before an island starts. A field that nobody acted on stands as the build drew it from here on: browsers fill in
 * what stood there at an earlier visit.
 *
 * @returns what does the early acts, to be called once it has started. It does none but take files and open
 *   folds where the island shows something else than the build drew, by its address or what it had kept: the others were
 *   on what is there no longer.
 */
export function holdEarly(island: Element): () => Promise<void> {
  const isOwn = (element: Element) => element.closest('astro-island') === island;
  const fields = [...island.querySelectorAll<Field>(FIELDS)].filter(isOwn);
  const listOthers = () => fields.filter((field) => ![...acted.keys()].some((one) => isOfEntry(field, one)));
  for (const field of listOthers()) if (!isDrawn(field)) write(field, readDrawn(field));
  starting.add(island);
  return async () => {
    if (island.hasAttribute('ssr'))
      await new Promise((resolve) => island.addEventListener('astro:hydrate', resolve, { once: true }));
    await pause(UNTIL_EFFECTS);
    await pause();
    starting.delete(island);
    const acts = [...acted].filter(([one]) => isOwn(one));
    if (acts.length === 0) return;
    const isAsDrawn = listOthers().every((field) => field.isConnected && isDrawn(field));
    for (const [act, { entered, isAnswered }] of acts) {
      acted.delete(act);
      if (!act.isConnected) continue;
      if (isAnswered) {
        if (isField(act) && read(act) !== entered) redo(act, entered);
      } else if (isFold(act)) {
        fold(act, entered === 'true');
      } else if (!isField(act)) {
        if (isAsDrawn) (act as HTMLElement).click();
      } else if ([entered, readDrawn(act)].includes(read(act))) {
        if (isAsDrawn || act.type === 'file') redo(act, entered);
        else for (const field of fields) if (isOfEntry(field, act)) write(field, readDrawn(field));
      }
      // What is drawn of one is what the next is done to.
      await pause();
    }
  };
}

function pause(milliseconds?: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

const isField = (element: Element): element is Field => element.matches(FIELDS);
const isFold = (element: Element): element is HTMLDetailsElement => element.matches('details');

/** Whether a field is that which was entered, or another choice of the same question. */
function isOfEntry(field: Field, entered: Element): boolean {
  return field === entered || (field.type === 'radio' && isField(entered) && field.name === entered.name);
}

function isTicked(field: Field): field is HTMLInputElement {
  return field.type === 'checkbox' || field.type === 'radio';
}

function read(field: Field): string {
  return isTicked(field) ? String(field.checked) : field.value;
}

/** Whether it shows what the build drew in it; of a long list of choices only the chosen one is looked at. */
function isDrawn(field: Field): boolean {
  return (
    ('options' in field && field.options[field.selectedIndex]?.defaultSelected) || read(field) === readDrawn(field)
  );
}

function readDrawn(field: Field): string {
  if (isTicked(field)) return String(field.defaultChecked);
  if ('options' in field)
    return ([...field.options].find((one) => one.defaultSelected) ?? field.options[0])?.value ?? '';
  return field.type === 'file' ? '' : field.defaultValue;
}

/** A file that was chosen stays. */
function write(field: Field, value: string): void {
  if (isTicked(field)) field.checked = value === 'true';
  else if (field.type !== 'file' && field.value !== value) field.value = value;
}

/** What sleeps until it is touched wakes, and then shows what was drawn. */
function wake(element: Element): void {
  element.dispatchEvent(new Event('focusin', { bubbles: true }));
}

/** As if it were done now. */
function redo(field: Field, value: string): void {
  wake(field);
  // What an earlier act has taken away can no longer be chosen.
  if ('options' in field && ![...field.options].some((one) => one.value === value)) return;
  write(field, value);
  for (const name of ['input', 'change']) field.dispatchEvent(new Event(name, { bubbles: true }));
}

/** It stands so already where nothing has drawn it anew, of which a browser says nothing. */
function fold(details: HTMLDetailsElement, isOpen: boolean): void {
  wake(details);
  details.open = isOpen;
  details.dispatchEvent(new Event('toggle'));
}
