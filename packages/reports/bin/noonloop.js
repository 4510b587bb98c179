#!/usr/bin/env node
import { runProcess } from '../dist/cli/process.js';

await runProcess();
