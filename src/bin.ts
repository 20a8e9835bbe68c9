#!/usr/bin/env node
import process from 'node:process';
import { run } from './cli.ts';

const { argv, env, stdin, stdout, stderr } = process;
process.exitCode = await run({ argv: argv.slice(2), cwd: process.cwd(), env, stdin, stdout, stderr });
