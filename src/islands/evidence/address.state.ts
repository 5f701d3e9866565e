/** The address of the Evidence page: it gives the settings, keeps every rest of them, and can be copied. */
import { type Signal, signal } from '@preact/signals';
import type { Settings } from '../../model/settings.ts';
import { copyText } from '../../ui/copyText.ts';
import { readSettings, writeSettings } from '../analysis/settingsAddress.ts';

export function createAddress(settings: Signal<Settings>) {
  /** What of the address was not taken. */
  const notice = signal<string | null>(null);
  /** What became of the wish to copy the link. */
  const copied = signal('');
  /** Settings as the address gave them, until they are changed. */
  let addressed: Settings | null = null;

  const read = () => {
    const found = readSettings(location.search);
    notice.value = found.notice;
    addressed = found.settings;
    settings.value = found.settings;
  };
  const write = (now: Settings) => {
    const address = `${location.pathname}${writeSettings(now)}${location.hash}`;
    if (address === `${location.pathname}${location.search}${location.hash}`) return;
    // What was only read is put right in its place: an entry more would lead “back” to itself.
    if (now === addressed) history.replaceState(null, '', address);
    else history.pushState(null, '', address);
    addressed = null;
  };
  const copyLink = async () => {
    copied.value = '';
    const link = `${location.origin}${location.pathname}${writeSettings(settings.value)}${location.hash}`;
    copied.value = (await copyText(link))
      ? 'The link is copied.'
      : 'This browser does not let a page copy; take the link from the address bar.';
  };
  /** Reads the address now and whenever the reader goes back or forth; gives what ends that. */
  const connect = () => {
    read();
    addEventListener('popstate', read);
    return () => removeEventListener('popstate', read);
  };
  return { notice, copied, copyLink, write, connect };
}
