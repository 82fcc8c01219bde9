import { parentPort } from 'node:worker_threads';
import { workOn, type Task } from './tables';

/** Works on what it is sent, one task after the other. */
parentPort?.on('message', (task: Task) => parentPort?.postMessage(workOn(task)));
