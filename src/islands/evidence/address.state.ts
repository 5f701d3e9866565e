/** The address of the Evidence page: it gives what is shown, keeps every rest of it, and can be copied. */
import { type Signal, signal } from '@preact/signals';
import type { Settings } from '../../model/settings.ts';
import { RELOADING } from '../../offline/words.ts';
import { copyText } from '../../ui/copyText.ts';
import { readView, writeView } from './evidenceAddress.ts';

interface Shown {
  readonly settings: Signal<Settings>;
  readonly pinned: Signal<Settings | null>;
  readonly showsNewStudy: Signal<boolean>;
}

/** @param arrive takes the settings of an address; `isFirst` where the page has just come up */
export function createAddress(
  { settings, pinned, showsNewStudy }: Shown,
  arrive: (found: Settings, isFirst: boolean) => void,
) {
  /** What of the address was not taken. */
  const notice = signal<string | null>(null);
  /** What became of the wish to copy the link. */
  const copied = signal('');
  /** The address as it should have read, until something is changed. */
  let addressed: string | null = null;

  const query = () =>
    writeView({ settings: settings.peek(), pinned: pinned.peek(), showsNewStudy: showsNewStudy.peek() });
  const read = (isFirst: boolean) => {
    const found = readView(location.search);
    notice.value = found.notice;
    pinned.value = found.pinned;
    showsNewStudy.value = found.showsNewStudy;
    arrive(found.settings, isFirst);
    addressed = query();
  };
  const write = () => {
    const now = query();
    const address = `${location.pathname}${now}${location.hash}`;
    if (address === `${location.pathname}${location.search}${location.hash}`) return;
    // What was only read is put right in its place: an entry more would lead “back” to itself.
    if (now === addressed) history.replaceState(null, '', address);
    else history.pushState(null, '', address);
    addressed = null;
  };
  const copyLink = async () => {
    copied.value = '';
    const link = `${location.origin}${location.pathname}${query()}${location.hash}`;
    copied.value = (await copyText(link))
      ? 'The link is copied.'
      : 'This browser does not let a page copy; take the link from the address bar.';
  };
  /** Reads the address now and whenever the reader goes back or forth; gives what ends that. */
  const connect = () => {
    read(true);
    const follow = () => read(false);
    addEventListener('popstate', follow);
    // A move that has not rested would be lost with the page.
    addEventListener(RELOADING, write);
    return () => {
      removeEventListener('popstate', follow);
      removeEventListener(RELOADING, write);
    };
  };
  return { notice, copied, copyLink, write, connect };
}
