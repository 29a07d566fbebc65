import { bringPhotos } from "#src/in-browser/photo-field.ts";
import { bringCalculators } from "#src/in-browser/sheet-calculators.ts";
import { bringDrafts } from "#src/in-browser/sheet-draft.ts";
import { bringLiveFigures } from "#src/in-browser/sheet-live.ts";
import { bringMarks } from "#src/in-browser/sheet-marks.ts";
import { keepOffline } from "#src/in-browser/sheet-offline.ts";
import { bringPad } from "#src/in-browser/sheet-pad.ts";
import { steps } from "#src/in-browser/sheet-place.ts";
import { noteHowStepsCame } from "#src/in-browser/sheet-refresh.ts";
import { bringSending } from "#src/in-browser/sheet-send.ts";
import { bringTool } from "#src/in-browser/sheet-tool.ts";
import { watchTouch } from "#src/in-browser/sheet-touch.ts";
import { bringWriting } from "#src/in-browser/sheet-write.ts";

if (steps() !== null) {
  noteHowStepsCame();
  watchTouch();
  bringTool();
  bringDrafts();
  bringLiveFigures();
  bringCalculators();
  bringPad();
  bringWriting();
  bringMarks();
  bringSending();
  bringPhotos();
  void keepOffline();
}
