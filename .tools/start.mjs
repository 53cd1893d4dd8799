// `npm start`: builds when the sources have changed, then serves.
import { DIST, ensureBuilt } from './built.mjs';
import { serve } from './serve.mjs';

if (ensureBuilt()) serve(DIST);
else process.exitCode = 1;
