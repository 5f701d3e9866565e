/**
 * zod as the whole project uses it: its small build (zod/mini, a third of the other in a page's
 * script), with messages in English and without generated code, so that a page may forbid `eval`.
 * Imported by every module that makes a schema.
 */
import { en } from 'zod/locales';
import * as z from 'zod/mini';

z.config({ ...en(), jitless: true });
