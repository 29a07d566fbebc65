import { bringPhotos } from "#src/in-browser/photo-field.ts";

bringPhotos();
