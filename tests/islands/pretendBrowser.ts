/** What the state of a page touches of a browser, pretended: workers that a test answers for, an address, stores and files. */
import { vi } from 'vitest';

type Listener = (event: { readonly data?: unknown }) => void;

/** What a worker was asked. */
export interface Asked {
  readonly id: number;
  readonly name: string;
  readonly request: Record<string, unknown>;
}

/** A worker that does nothing of its own accord. */
export class PretendWorker {
  readonly asked: Asked[] = [];
  /** Numbers of the requests that were cancelled. */
  readonly cancelled: number[] = [];
  isEnded = false;
  private readonly listeners: Record<string, Listener[]> = {};

  addEventListener(name: string, listener: Listener): void {
    this.listeners[name] = [...(this.listeners[name] ?? []), listener];
  }

  postMessage(question: Asked | { readonly id: number; readonly cancel: true }): void {
    if ('cancel' in question) this.cancelled.push(question.id);
    else this.asked.push(question);
  }

  terminate(): void {
    this.isEnded = true;
  }

  /** Says something to the page, as long as it has not been ended. */
  say(data: unknown): void {
    if (!this.isEnded) for (const listener of this.listeners.message ?? []) listener({ data });
  }

  /** Fails as a worker does that the browser cannot start. */
  break(): void {
    for (const listener of this.listeners.error ?? []) listener({});
  }

  /** Requests of one operation. */
  askedFor(name: string): Asked[] {
    return this.asked.filter((question) => question.name === name);
  }

  /** Answers the newest request of an operation with a result, a problem or progress. */
  answer(
    name: string,
    by: { readonly result: unknown } | { readonly problem: string } | { readonly progress: unknown },
  ) {
    const question = this.askedFor(name).at(-1);
    if (!question) throw new Error(`nobody asked for ${name}`);
    this.say({ id: question.id, ...by });
  }
}

export interface PretendBrowser {
  /** Workers in the order in which they were started. */
  readonly workers: PretendWorker[];
  /** Ways in which the address was written: “push ?v=1&curve=log”. */
  readonly written: string[];
  /** Names of the files that were saved. */
  readonly saved: string[];
  readonly location: { search: string; hash: string; pathname: string; origin: string };
}

/** @param storage “forbidden” for a browser that lets pages keep nothing */
export function pretendBrowser(
  query = '',
  storage: Readonly<Record<string, string>> | 'forbidden' = {},
): PretendBrowser {
  const browser: PretendBrowser = {
    workers: [],
    written: [],
    saved: [],
    location: { search: query, hash: '', pathname: '/page/', origin: 'https://shy.example' },
  };
  const write = (how: string) => (_state: unknown, _title: string, address: string) => {
    const query = address.slice(browser.location.pathname.length).split('#')[0];
    browser.written.push(`${how} ${query}`);
    browser.location.search = query;
  };
  const kept = new Map(storage === 'forbidden' ? [] : Object.entries(storage));
  const guard = <Result>(act: () => Result): Result => {
    if (storage === 'forbidden') throw new Error('the store is forbidden');
    return act();
  };
  const store = {
    getItem: (name: string) => guard(() => kept.get(name) ?? null),
    setItem: (name: string, text: string) => guard(() => kept.set(name, text)),
    removeItem: (name: string) => guard(() => kept.delete(name)),
  };
  vi.stubGlobal(
    'Worker',
    class extends PretendWorker {
      constructor() {
        super();
        browser.workers.push(this);
      }
    },
  );
  vi.stubGlobal('location', browser.location);
  vi.stubGlobal('history', { pushState: write('push'), replaceState: write('replace') });
  vi.stubGlobal('addEventListener', () => undefined);
  vi.stubGlobal('removeEventListener', () => undefined);
  vi.stubGlobal('dispatchEvent', () => true);
  vi.stubGlobal('localStorage', store);
  vi.stubGlobal('sessionStorage', store);
  vi.stubGlobal('document', {
    getElementById: () => null,
    createElement: () => {
      const link = { href: '', download: '', click: () => browser.saved.push(link.download) };
      return link;
    },
  });
  return browser;
}
