import { readLetter } from "../reading/letter.ts";
import { openFile } from "../reading/open-file.ts";
import { serve } from "./serve.ts";

serve({ letter: readLetter, file: openFile });
