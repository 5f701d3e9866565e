/**
 * Where the site will stand, from the two variables that say it. Both are looked at before Astro is, which would take
 * some wrong ones without a word and end at others with a message of something else.
 */

export interface SiteAddress {
  /** Scheme and host, “https://shy.example”; undefined where it is not told. */
  readonly site: string | undefined;
  /** Path that every address of the site begins with: “/”, or “/sub/path/”. */
  readonly base: string;
}

/** A part of a path that is the same in an address and as a folder: nothing in it needs an escape (RFC 3986, unreserved). */
const PART = /^[\w.~-]+$/u;

/**
 * @param variables `SITE_URL` and `BASE_PATH`; empty is as not set
 * @throws one message for all that is wrong, with what was seen, where, what was expected and what to do
 */
export function readSiteAddress(variables: Readonly<Record<string, string | undefined>>): SiteAddress {
  const written = { SITE_URL: variables.SITE_URL?.trim() || undefined, BASE_PATH: variables.BASE_PATH?.trim() || '/' };
  const wrong = [
    written.SITE_URL === undefined ? null : refuseSite(written.SITE_URL, written.BASE_PATH),
    refuseBase(written.BASE_PATH),
  ].filter((one) => one !== null);
  if (wrong.length > 0) throw new Error(wrong.join('\n'));
  return {
    site: written.SITE_URL === undefined ? undefined : new URL(written.SITE_URL).origin,
    base: `/${partsOf(written.BASE_PATH).join('/')}/`.replace('//', '/'),
  };
}

function refuseSite(written: string, base: string): string | null {
  const refuse = (remedy: string) =>
    `environment variable SITE_URL: expected scheme and host of the site, like https://shy.example, received ${quote(written)}. ${remedy}`;
  const url = URL.parse(written);
  if (!url) return refuse('Write https:// and the name of the host.');
  if (url.protocol !== 'https:' && url.protocol !== 'http:') {
    return refuse(`Pages are served by https: or http:, not by ${url.protocol}`);
  }
  if (!/^https?:\/\//iu.test(written)) return refuse('Write two slashes after the scheme.');
  if (url.username || url.password) return refuse('Leave out user and password: every page would show them.');
  if (url.search || url.hash || /[?#]/u.test(written)) return refuse('Leave out what follows the host.');
  if (url.pathname !== '/') {
    const path = `${url.pathname.replace(/\/$/u, '')}/`;
    const said = base === '/' ? `BASE_PATH=${path}` : `BASE_PATH, which is ${quote(base)} now,`;
    return refuse(`A path is told by ${said} and SITE_URL=${url.origin} without it.`);
  }
  return null;
}

function refuseBase(written: string): string | null {
  const refuse = (remedy: string) =>
    `environment variable BASE_PATH: expected / or the path below the host that the site is served from, like /sub/path/, received ${quote(written)}. ${remedy}`;
  if (/^[a-z][a-z\d+.-]*:/iu.test(written))
    return refuse('Scheme and host belong in SITE_URL; leave the path alone here.');
  if (/^\/\//u.test(written)) return refuse('Two slashes at the start would name another host; write one.');
  if (/[?#]/u.test(written)) return refuse('Leave out ? and # with what follows.');
  if (written.includes('\\')) return refuse('Write / and not \\.');
  if (written.includes('//')) return refuse('Write one slash between the parts.');
  const parts = partsOf(written);
  if (parts.some((part) => part === '.' || part === '..')) {
    return refuse('Write the whole path from the host on, without . and .. in it.');
  }
  const odd = parts.find((part) => !PART.test(part));
  if (odd !== undefined)
    return refuse(`Rename the folder ${quote(odd)}: a to z, digits, - . _ and ~ need no escape in addresses.`);
  return null;
}

function partsOf(path: string): readonly string[] {
  return path.split('/').filter((part) => part !== '');
}

function quote(text: string): string {
  return `“${text}”`;
}
