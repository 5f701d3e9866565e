/**
 * zod as the whole project uses it: its small build (zod/mini, a third of the other in a page's
 * script), without generated code, so that a page may forbid `eval`. Imported by every module that
 * makes a schema; who shows zod's own messages imports zodMessages.ts too.
 */
import * as z from 'zod/mini';

z.config({ jitless: true });
