// Lets Node import TypeScript: `node --import ./tests/typescript.mjs`. tsx does too, but gives every inner function its name anew each time it is
// made, which doubles the time of loops that make some.
import { register } from 'node:module';

process.setSourceMapsEnabled(true);
register('./typescript-hooks.mjs', import.meta.url);
