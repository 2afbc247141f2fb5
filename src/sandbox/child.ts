import { readLetter } from "../reading/letter/letter.ts";
import { openFile } from "../reading/open-file.ts";
import { prepareForms } from "../reading/page/known-forms.ts";
import { serve } from "./serve.ts";

serve(
  {
    letter: readLetter,
    file: (bytes, early, _, forms) => openFile(bytes, early, forms),
    // Loaded when first wanted, since most letters need none of them.
    sender: async (bytes, _, inquiry) => (await import("./prove-sender.ts")).proveSender(bytes, inquiry),
    mark: async (bytes, _, { sheet, problems, mending }, forms) =>
      (await import("../drawing/marked-copy.ts")).markSheet(bytes, sheet, problems, mending, forms),
    page: async (bytes, _, wanted) =>
      (await import("../reading/page/page-picture.ts")).pagePicture(bytes, wanted),
    outline: async (bytes) => (await import("../reading/own-form/read-outline.ts")).readOutline(bytes),
  },
  prepareForms,
);
