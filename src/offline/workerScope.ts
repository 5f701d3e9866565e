/**
 * What the service worker finds around it, as far as it uses it: TypeScript's own description cannot stand beside that
 * of a document (Service Workers, W3C, chapters 3 and 4).
 */
import type { PrecacheEntry } from 'workbox-precaching/_types.js';

/** What a page says to the worker: to answer for all pages from now on; that a page which it gave is on the screen. */
export type Asked = 'take over' | 'page shown';

/** What the worker keeps. */
export interface Built {
  /** Hexadecimal; another one for other files. */
  readonly version: string;
  readonly files: readonly PrecacheEntry[];
}

/** An event that is not over before what it waits for. */
export interface LongEvent extends Event {
  waitUntil(done: Promise<unknown>): void;
}

/** A page in a tab or frame. */
interface Client {
  readonly id: string;
}

interface WorkerScope {
  readonly registration: {
    /** Address below which the worker answers, with a slash at its end. */
    readonly scope: string;
    readonly installing: object | null;
    readonly waiting: object | null;
  };
  readonly clients: {
    /** Pages below this origin, those that other workers or none answer for among them where it says so. */
    matchAll(options: { readonly type: 'window'; readonly includeUncontrolled: true }): Promise<readonly Client[]>;
    get(id: string): Promise<Client | undefined>;
    claim(): Promise<void>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LongEvent) => void): void;
  addEventListener(type: 'message', listener: (event: LongEvent & { readonly data: unknown }) => void): void;
  /** What the build writes in its place. */
  readonly BUILT: Built;
}

export const worker = self as unknown as WorkerScope;
