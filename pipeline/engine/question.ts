// What a database engine is asked of a log, and what it answers: figures of blocks of rows, of each column.

export interface Question {
  /** The file, UTF-8 without a byte order mark, which has no quotes. */
  path: string;
  delimiter: string;
  /** Lines before the first row, and cells in each row. */
  skip: number;
  width: number;
  /** Columns wanted: where they stand in the row, from 0, and how many decimals their numbers have at most. */
  columns: { at: number; decimals: number }[];
  /** Cells that say that there is no value, besides empty ones. */
  missing: string[];
  /** Rows in a block. */
  block: number;
}

/** By block, with numbers as whole numbers of the column's last decimal. Where the count is 0, the others say nothing. */
export interface ColumnAnswer {
  counts: Float64Array;
  sums: Float64Array;
  least: Float64Array;
  most: Float64Array;
  /** Sums of the squares of these whole numbers; the sums are exact below 2^50. */
  squares: BigInt64Array;
}

export interface Answer {
  /** Rows in each block. */
  rows: Float64Array;
  /** In the order of the question's columns. */
  columns: ColumnAnswer[];
}
