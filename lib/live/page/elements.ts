/** Elements of a live page by name, and its sliders. @module */
import type { UnitSystem } from "../../units/quantity.ts";
import type { ChangeName, Changes, LivePage, Slider } from "../types.ts";
import { shown } from "./text.ts";

/** An element that the page must have. */
export function byId<T extends HTMLElement = HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`Cannot find the element "${id}"`);
  return found as T;
}

/** A control that the page must have. */
export function control(id: string): HTMLInputElement {
  return byId<HTMLInputElement>(id);
}

/** The sliders of a page. */
export interface Sliders {
  /** Puts every slider where its value is, with its words; unmoved ones at the study's value. */
  show(changes: Changes, units: UnitSystem): void;
  /** Hears of every move, in the unit inside the library. */
  onMove(listener: (name: ChangeName, value: number) => void): void;
}

/** Finds the sliders of a page. */
export function slidersIn(page: Pick<LivePage, "sliders">): Sliders {
  const all = page.sliders.map((slider): readonly [Slider, HTMLInputElement] => [
    slider,
    control(`slider-${slider.name}`),
  ]);
  return {
    show(changes, units) {
      for (const [{ name, kind, value }, input] of all) {
        const now = changes[name] ?? value;
        // a slider snaps to its steps, and the study's value need not be one: the words are exact
        if (input.valueAsNumber !== now) input.valueAsNumber = now;
        const words = shown(now, kind, units);
        input.setAttribute("aria-valuetext", words);
        byId(`slider-${name}-value`).textContent = words;
      }
    },
    onMove(listener) {
      for (const [{ name }, input] of all) {
        input.addEventListener("input", () => listener(name, input.valueAsNumber));
      }
    },
  };
}
