import type { LetterFacts } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

const building = new RegExp(
  `(?<!\\p{L})(?:[Ff]or|[Aa]t|[Oo]f) (?:the )?((?:\\p{Lu}[\\p{L}.'’-]* ){1,4})(?:${[
    "Clinic|Hospital|Hospice|Library|School|Academy|College|University|Church|Chapel|Temple|Synagogue|Mosque|Parish",
    "Museum|Theat(?:er|re)|Arena|Stadium|Courthouse|Terminal|Hotel|Inn|Lodge|Resort|Residence|Apartments|Condos|Lofts",
    "(?<!Main |Guest |Pool |Club |Boat |Coach |Power |Green |Open |Full )House|Manor|Villa|Towers?|Plaza|Mall|Bank|Winery|Brewery|Restaurant|Offices",
  ].join("|")})(?!\\p{L})`,
  "u",
);

/** "The stations for Willow Bend Veterinary". */
const job =
  /(?<!\p{L})(?:[Ss]tations?|[Ss]heets?|[Oo]rders?|[Kk]eypads?|[Dd]evices?|[Pp]lates?|[Ff]orms?|[Jj]obs?) (?:attached |enclosed )?for (?:the )?((?:\p{Lu}[\p{L}’'-]+(?: |$|(?=[,.;:!]))){2,4})/u;
/** Words of names for parts of a building, for times and for people. */
const ofParts = new Set(
  tokensOf(`floor level phase building block tower wing suite suites unit room rooms hall lobby area office offices stair
    north south east west upper lower ground first second third fourth fifth main master guest great dining living front
    rear back pool mr mrs ms miss dr monday tuesday wednesday thursday friday saturday sunday january february march april
    may june july august september october november december thanks thank you your quick review approval`),
);

/** "For Harbor Clinic": whether words name a building or a job, and no word of its name stands on a sheet. */
export function namesOtherBuilding(words: string, { projects, names, sheets }: LetterFacts): boolean {
  const known = new Set([...projects, ...names].flatMap(tokensOf));
  const legends = new Set(
    sheets.flatMap((sheet) => sheet.legends.flatMap(({ rows }) => tokensOf(rows.join(" ")))),
  );
  const isOther = (name: string, isKnown: (token: string) => boolean): boolean => {
    const called = tokensOf(name);
    return called.length > 0 && !called.some(isKnown);
  };
  return (
    projects.length > 0 &&
    (isOther(building.exec(words)?.[1] ?? "", (token) => known.has(token)) ||
      isOther(
        job.exec(words)?.[1] ?? "",
        (token) => known.has(token) || legends.has(token) || ofParts.has(token),
      ))
  );
}
