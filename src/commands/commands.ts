import { backup } from "./backup.ts";
import { blank } from "./blank.ts";
import { check } from "./check.ts";
import type { Command } from "./command.ts";
import { cut } from "./cut.ts";
import { day } from "./day.ts";
import { demo } from "./demo.ts";
import { desk } from "./desk.ts";
import { edition } from "./edition.ts";
import { erase } from "./erase.ts";
import { explain } from "./explain.ts";
import { fill } from "./fill.ts";
import { order } from "./order.ts";
import { people } from "./people.ts";
import { proof } from "./proof.ts";
import { release } from "./release.ts";
import { restore } from "./restore.ts";
import { settings } from "./settings.ts";
import { settle } from "./settle.ts";
import { user } from "./user.ts";
import { work } from "./work.ts";

/** Every command, as `burin --help` and README list them. */
export const commands: readonly Command[] = [
  demo,
  check,
  proof,
  work,
  blank,
  fill,
  edition,
  order,
  people,
  settle,
  release,
  cut,
  day,
  desk,
  user,
  erase,
  backup,
  restore,
  explain,
  settings,
];
