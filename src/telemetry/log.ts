import { pino } from "pino";
import type { Log } from "../ports/log.ts";

/**
 * The worker's log: one JSON object a line on the standard error stream. It holds no addresses and no legends. If one
 * slips into a field of these names, it is blotted out.
 */
export function openLog(level: "info" | "warn" | "silent" = "info"): Log {
  const log = pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      serializers: { cause: pino.stdSerializers.err },
      redact: ["from", "to", "address", "recipient", "sender", "subject", "legend", "text", "*.address"],
    },
    pino.destination({ dest: 2, sync: true }),
  );
  return {
    info: (fields, sentence) => log.info(fields, sentence),
    warn: (fields, sentence) => log.warn(fields, sentence),
  };
}
