// Asks DuckDB in a thread of its own, so that the log can be read here meanwhile, and waits for its answer.
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { ThreadData, Told } from './duckdb-thread.js';
import { queryOf } from './query.js';
import type { Answer, Question } from './question.js';

/** Milliseconds that a thread has to begin in. */
const patience = 10_000;

export interface Asked {
  /** Waits; a text where the engine refused the file or could not be loaded. */
  answer(): Answer | string;
  /** Waits until it has let go, without an answer. */
  stop(): void;
}

/** `module` is a path within the folder where the package is installed. */
export function ask(module: string, question: Question): Asked {
  const query = queryOf(question);
  if (query === undefined) return { answer: () => 'its path would be taken for a pattern', stop: () => undefined };
  const state = new Int32Array(new SharedArrayBuffer(4));
  const { port1, port2 } = new MessageChannel();
  const workerData: ThreadData = { module, query, question, state, port: port2 };
  // What this process was started with may be nothing for a thread that runs a file.
  const thread = new Worker(threadFile(), { workerData, transferList: [port2], execArgv: [] });
  thread.unref();
  // What it could not say itself comes to nothing: no answer is waited for beyond a thread that does not begin.
  thread.on('error', () => undefined);
  const told = (): Told => {
    if (Atomics.wait(state, 0, 0, patience) === 'timed-out') return { trouble: 'its thread does not begin' };
    Atomics.wait(state, 0, 1);
    const message = receiveMessageOnPort(port1)?.message as Told | undefined;
    port1.close();
    return message ?? { trouble: 'it gave no answer' };
  };
  return {
    answer() {
      const said = told();
      return 'answer' in said ? said.answer : said.trouble;
    },
    stop() {
      port1.postMessage('stop');
      told();
    },
  };
}

/** A thread runs what is compiled, as do the tests that read the sources. */
function threadFile(): URL {
  return new URL(import.meta.url.endsWith('.ts') ? '../../dist/engine/duckdb-thread.js' : './duckdb-thread.js', import.meta.url);
}
