import { PrismaPg } from '@prisma/adapter-pg';
import { ColumnTypeEnum, DriverAdapterError, type SqlQuery } from '@prisma/driver-adapter-utils';
import { DatabaseError, type QueryArrayConfig, type QueryArrayResult } from 'pg';

// Numbers from pg_type.
const char = 18;
const charArray = 1002;

/**
 * adapter-pg 7.10 as the migration engine needs it. Two gaps, both seen: it refuses the catalogue type "char", so that
 * no database can be described; and it cuts scripts at every semicolon, also those in comments, strings and functions.
 */
export class SchemaEngineAdapter extends PrismaPg {
  private readonly open: Adapter[] = [];

  override async connect() {
    return this.keep(mend(await super.connect()));
  }

  override async connectToShadowDb() {
    return this.keep(mend(await super.connectToShadowDb()));
  }

  /** The engine leaves its main connection open. */
  async close(): Promise<void> {
    for (const adapter of this.open) {
      const pool = adapter.underlyingDriver();
      if (!pool.ending) await pool.end();
    }
  }

  private keep(adapter: Adapter): Adapter {
    this.open.push(adapter);
    return adapter;
  }
}

type Adapter = Awaited<ReturnType<PrismaPg['connect']>>;

function mend(adapter: Adapter): Adapter {
  const pool = adapter.underlyingDriver();
  const send: (query: QueryArrayConfig) => Promise<QueryArrayResult> = pool.query.bind(pool);
  const ask = adapter.queryRaw.bind(adapter);

  // The adapter knows arrays of "char" but not "char": the column passes it under that name and gets its own back.
  Object.assign(pool, {
    async query(config: QueryArrayConfig) {
      const result = await send(config);
      for (const field of result.fields ?? []) if (field.dataTypeID === char) field.dataTypeID = charArray;
      return result;
    },
  });
  return Object.assign(adapter, {
    async queryRaw(query: SqlQuery) {
      const result = await ask(query);
      const columnTypes = result.columnTypes.map((type) =>
        type === ColumnTypeEnum.CharacterArray ? ColumnTypeEnum.Character : type,
      );
      return { ...result, columnTypes };
    },
    async executeScript(script: string) {
      // One simple query: PostgreSQL parses the script itself and runs all of it or nothing.
      await pool.query(script).catch((error: unknown) => {
        throw error instanceof DatabaseError ? readableError(error) : error;
      });
    },
  });
}

function readableError(error: DatabaseError): DriverAdapterError {
  return new DriverAdapterError({
    kind: 'postgres',
    code: error.code ?? 'N/A',
    severity: error.severity ?? 'N/A',
    message: error.message,
    detail: error.detail,
    column: error.column,
    hint: error.hint,
  });
}
