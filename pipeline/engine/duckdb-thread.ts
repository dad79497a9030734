// The thread in which DuckDB is asked. It answers once, with figures or with what went wrong, and wakes whoever waits.
import { createRequire } from 'node:module';
import { type MessagePort, workerData } from 'node:worker_threads';
import type { Answer, Question } from './question.js';

export interface ThreadData {
  /** Where the package is installed: a path within its folder. */
  module: string;
  query: string;
  question: Question;
  /** 0 at first, 1 once this thread runs, 2 once it has answered. */
  state: Int32Array;
  port: MessagePort;
}
export type Told = { answer: Answer } | { trouble: string };

interface DuckDB {
  DuckDBInstance: { create(path: string, options: Record<string, string>): Promise<{ connect(): Promise<Connection>; closeSync(): void }> };
}
interface Chunk {
  rowCount: number;
  /** Numbers of 64 bits stand in `items`, those of 128 bits in `dataView`, lower half first. */
  getColumnVector(i: number): { items?: Float64Array | BigInt64Array; dataView?: DataView };
}
interface Connection {
  stream(sql: string): Promise<{ fetchChunk(): Promise<Chunk | null> }>;
  interrupt(): void;
  closeSync(): void;
}

const { module, query, question, state, port } = workerData as ThreadData;

/** Nothing is fetched from anywhere, and nothing is put on the disk. */
const options = { threads: '1', memory_limit: '1GB', temp_directory: '', autoinstall_known_extensions: 'false', autoload_known_extensions: 'false', preserve_insertion_order: 'true' };

async function asked(): Promise<Answer> {
  const { DuckDBInstance } = createRequire(module)('@duckdb/node-api') as DuckDB;
  const instance = await DuckDBInstance.create(':memory:', options);
  const connection = await instance.connect();
  port.once('message', () => connection.interrupt());
  try {
    const result = await connection.stream(query);
    return await collected(result);
  } finally {
    connection.closeSync();
    instance.closeSync();
  }
}

async function collected(result: Awaited<ReturnType<Connection['stream']>>): Promise<Answer> {
  const chunks: Chunk[] = [];
  let blocks = 0;
  for (let chunk = await result.fetchChunk(); chunk && chunk.rowCount > 0; chunk = await result.fetchChunk()) {
    chunks.push(chunk);
    blocks += chunk.rowCount;
  }
  const numbers = (): Float64Array => new Float64Array(blocks);
  const answer: Answer = { rows: numbers(), columns: question.columns.map(() => ({ counts: numbers(), sums: numbers(), least: numbers(), most: numbers(), squares: new BigInt64Array(blocks) })) };
  for (const chunk of chunks) {
    const at = Array.from(chunk.getColumnVector(0).items as BigInt64Array, Number);
    spread(chunk, 1, at, 0, answer.rows);
    question.columns.forEach(({ decimals }, k) => {
      const into = answer.columns[k]!;
      [into.counts, into.sums, into.least, into.most].forEach((list, i) => spread(chunk, 2 + 5 * k + i, at, i ? decimals : 0, list));
      const { dataView } = chunk.getColumnVector(6 + 5 * k) as { dataView: DataView };
      at.forEach((block, i) => {
        if (into.counts[block] === 0) return;
        if (dataView.getBigInt64(16 * i + 8, true) !== 0n) throw new RangeError('a sum of squares needs more than 64 bits');
        into.squares[block] = dataView.getBigInt64(16 * i, true);
      });
    });
  }
  return answer;
}

/** A column of the result to the blocks that its rows are of, as whole numbers of a decimal. */
function spread(chunk: Chunk, column: number, at: readonly number[], decimals: number, into: Float64Array): void {
  const { items } = chunk.getColumnVector(column) as { items: Float64Array };
  const unit = 10 ** decimals;
  for (let i = 0; i < at.length; i++) into[at[i]!] = Math.round(items[i]! * unit);
}

function tell(told: Told): void {
  port.postMessage(told);
  Atomics.store(state, 0, 2);
  Atomics.notify(state, 0);
  port.close();
}

Atomics.store(state, 0, 1);
Atomics.notify(state, 0);
asked().then((answer) => tell({ answer }), (thrown: unknown) => tell({ trouble: String(thrown) }));
