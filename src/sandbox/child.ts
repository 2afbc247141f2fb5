import { readLetter } from "../reading/letter/letter.ts";
import { openFile } from "../reading/open-file.ts";
import { prepareForms } from "../reading/page/known-forms.ts";
import { serve } from "./serve.ts";

serve(
  {
    letter: readLetter,
    file: (bytes, early, _, forms) => openFile(bytes, early, forms),
    // Loaded when first wanted, since most letters need neither.
    sender: async (bytes, _, inquiry) => (await import("./prove-sender.ts")).proveSender(bytes, inquiry),
    mark: async (bytes, _, { sheet, problems }) => {
      const { markedCopy } = await import("../drawing/marked-copy.ts");
      const copy = await markedCopy(bytes, sheet, problems);
      return copy === undefined ? {} : { copy };
    },
    page: async (bytes, _, wanted) =>
      (await import("../reading/page/page-picture.ts")).pagePicture(bytes, wanted),
  },
  prepareForms,
);
