#!/usr/bin/env node
import module from 'node:module';

// Node 22 and newer keep what they have compiled; the second call starts faster.
module.enableCompileCache?.();
const { runProcess } = await import('../dist/command/noonloop.js');
await runProcess();
