import type { DrawingInputs } from "winterground/drawings/mod.ts";
import { DEFAULTS } from "../harness/defaults.ts";

/** What a test may change of the made-up field. */
export interface ExampleChanges {
  readonly layers?: number;
  readonly perLayer?: number;
  readonly groups?: number;
  readonly footingDepth?: number | null;
  readonly houseLength?: number;
  readonly houseWidth?: number;
  readonly length?: number;
  readonly spacing?: number;
  readonly direction?: "along" | "across";
  readonly layout?: "Z" | "U" | "centre" | "two-ended";
  readonly header?: number;
  readonly riser?: number;
  readonly fans?: number;
  readonly slope?: number;
  readonly frostDepth?: number;
  readonly waterTableDepth?: number | null;
  readonly title?: string;
  readonly units?: "SI" | "US";
}

/** A made-up field for the drawing tests. */
export function exampleInputs(overrides: ExampleChanges = {}): DrawingInputs {
  const layers = overrides.layers ?? 2;
  const perLayer = overrides.perLayer ?? 12;
  const spacing = overrides.spacing ?? 0.45;
  const length = overrides.length ?? 20;
  const positions = Array.from({ length: layers * perLayer }, (_, index) => ({
    x: (index % perLayer - (perLayer - 1) / 2) * spacing,
    depth: 0.6 + 0.4 * Math.floor(index / perLayer),
  }));
  return {
    units: overrides.units ?? "SI",
    title: overrides.title ?? "Drawing test, an invented field",
    house: {
      ...DEFAULTS.house,
      shape: "gable",
      length: overrides.houseLength ?? 24,
      width: overrides.houseWidth ?? 8,
      eaveHeight: 2,
      ridgeHeight: 4.2,
      facing: 180,
      glazing: "twin-wall",
      northWall: 0.3,
      kneeWallHeight: 0.6,
      kneeWall: 0.4,
      endWalls: "glazed",
      northRoof: 0.3,
      leakage: 0.5,
      leakageWind: 0.1,
      curtain: null,
      edgeInsulation: 2,
      edgeInsulationDepth: 1,
      edgeInsulationWing: 0,
      northEarthHeight: 0,
      footingDepth: overrides.footingDepth === undefined ? 0.8 : overrides.footingDepth,
      waterVolume: 0,
      waterSurface: 0,
      masonryVolume: 0,
      masonrySurface: 0,
      massSunView: 0.5,
      summerShade: 0,
      summerShadeAbove: 15,
      crop: "leafy greens",
      leafArea: 2,
      heatSetPoint: 2,
      heatSetPointDay: 2,
      ventSetPoint: 26,
      ventCapacity: 20,
      purgeHumidity: 0.95,
      heaterPower: 0,
    },
    tubesInputs: {
      ...DEFAULTS.tubes,
      tube: "corrugated 100",
      count: layers * perLayer,
      length,
      spacing,
      layers,
      layerSpacing: 0.4,
      depth: 0.6,
      airFlow: 0.4,
      slope: overrides.slope ?? 0.01,
      direction: overrides.direction ?? "along",
      extraLosses: 0,
    },
    tubes: {
      product: {
        id: "corrugated 100",
        name: "corrugated drain tube 100",
        insideDiameter: 0.102,
        outsideDiameter: 0.118,
        wall: "corrugated",
        manning: 0.015,
        roughness: null,
        perforated: true,
        source: "invented for the test",
      },
      count: layers * perLayer,
      length,
      totalLength: layers * perLayer * length,
      diameter: 0.102,
      positions,
      airSpeed: 2,
      flowPerTube: 0.0163,
      reynolds: 13000,
      frictionFactor: 0.06,
      pressureDrop: 30,
      lossCoefficient: 13,
      filmCoefficient: 10,
      transferUnits: 2,
      effectiveness: 0.86,
      notices: [],
    } as unknown as DrawingInputs["tubes"],
    headersInputs: {
      ...DEFAULTS.headers,
      layout: overrides.layout ?? "U",
      diameter: overrides.header ?? 0.381,
      returnDiameter: overrides.header ?? 0.381,
      roughness: 0.0001,
      manning: null,
      inlet: "flush",
      insertion: 0,
      groups: overrides.groups ?? 2,
    } as unknown as DrawingInputs["headersInputs"],
    riserDiameter: overrides.riser ?? 0.4,
    fans: overrides.fans ?? 1,
    frostDepth: overrides.frostDepth ?? 1.3,
    waterTableDepth: overrides.waterTableDepth ?? null,
  };
}

/** Fields at the edges of what people build: narrow, wide, long, small, one tube, every layout. */
export const ODD_FIELDS: Readonly<Record<string, DrawingInputs>> = {
  "one tube": exampleInputs({ layers: 1, perLayer: 1, groups: 1 }),
  "sixty tubes across": exampleInputs({
    layers: 1,
    perLayer: 60,
    groups: 1,
    direction: "across",
    length: 6,
    spacing: 0.38,
    fans: 3,
    riser: 0.3,
  }),
  "across the house": exampleInputs({
    perLayer: 40,
    direction: "across",
    length: 6.4,
    spacing: 0.5,
    layout: "Z",
    fans: 2,
  }),
  "three layers on one header": exampleInputs({ layers: 3, perLayer: 6, groups: 1, header: 0.61 }),
  "long house": exampleInputs({
    houseLength: 60,
    houseWidth: 9,
    length: 55,
    perLayer: 16,
    slope: 0.02,
    layout: "Z",
    fans: 2,
  }),
  "small house": exampleInputs({
    houseLength: 6,
    houseWidth: 4,
    length: 4,
    perLayer: 5,
    spacing: 0.4,
    header: 0.254,
    riser: 0.2,
    footingDepth: 0,
    groups: 1,
  }),
  "two-ended": exampleInputs({ layout: "two-ended", fans: 2, frostDepth: 0.8 }),
  "two hundred tubes in two layers": exampleInputs({
    perLayer: 100,
    groups: 4,
    direction: "across",
    houseLength: 24,
    length: 6,
    spacing: 0.22,
    fans: 4,
    footingDepth: null,
  }),
  "two hundred tubes in one layer": exampleInputs({
    layers: 1,
    perLayer: 200,
    groups: 5,
    direction: "across",
    houseLength: 60,
    houseWidth: 12,
    length: 10,
    spacing: 0.28,
    header: 0.6,
    layout: "centre",
    fans: 5,
  }),
  "three layers with a header each": exampleInputs({
    layers: 3,
    perLayer: 8,
    groups: 3,
    header: 0.3,
    footingDepth: 0,
    layout: "two-ended",
    direction: "across",
    length: 6,
  }),
  "one tube in a tiny house": exampleInputs({
    layers: 1,
    perLayer: 1,
    groups: 1,
    houseLength: 3,
    houseWidth: 2.5,
    length: 1.6,
    header: 0.18,
    riser: 0.15,
    footingDepth: null,
  }),
  "two layers bent into one header": exampleInputs({
    perLayer: 7,
    groups: 1,
    houseLength: 12,
    houseWidth: 6,
    length: 9,
    header: 0.3,
    riser: 0.3,
    layout: "Z",
    footingDepth: 2,
  }),
  "large house": exampleInputs({
    layers: 3,
    perLayer: 58,
    groups: 12,
    houseLength: 60,
    houseWidth: 12,
    length: 57,
    spacing: 0.2,
    slope: 0.005,
    fans: 3,
    header: 0.39,
    riser: 0.78,
    footingDepth: 1.2,
    waterTableDepth: 2.4,
  }),
  "from the centre": exampleInputs({
    layout: "centre",
    waterTableDepth: 1.5,
    title: "A study whose title runs on and on until it needs more than a single line of the block",
  }),
};
