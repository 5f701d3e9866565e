/** zod's messages in English, for who shows them: apart, since most pages never do. */
import { en } from 'zod/locales';
import * as z from 'zod/mini';

z.config(en());
