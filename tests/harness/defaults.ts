/** Inputs of every chapter as the field table fills them, for fixtures that state what they are about. */
import { checkStudyText } from "winterground/study/file/check_study.ts";
import { type ChapterInputs, deriveDefaults } from "winterground/study/file/derive.ts";

const LEAST = `
place: {name: Testfield, latitude: 49 deg, longitude: -100 deg, elevation: 500 m, timeZone: UTC-6}
climate: {normals: normals.csv}
house: {length: 12 m, width: 6 m}
`;

/** A study of 12 m by 6 m that gives nothing else. A new key of the study file is in it by itself. */
export const DEFAULTS: ChapterInputs = deriveDefaults(checkStudyText(LEAST, "least.yaml")).inputs;
