import { parentPort, workerData } from 'node:worker_threads';
import { type EngravedPart, engravePart } from '../../report/index.js';
import type { EngravingWork } from './engrave-pieces.js';

const { musicXml } = workerData as EngravingWork;
const parts: (EngravedPart | null)[] = [];
for (const text of musicXml) parts.push(text === null ? null : await engravePart(text));
parentPort?.postMessage(parts);
