// Instants as a shed reads them: its own wall clock, whatever zone the reader is in.
import { dates } from "./intl.js";

/** An instant's wall clock as a date that is written in UTC. */
export const wall = (instant) => new Date(`${instant.slice(0, 19)}Z`);

const MINUTE = 60_000;

/** The next whole minute, for promises that must not be early. */
const roundedUp = (date) => new Date(Math.ceil(date / MINUTE) * MINUTE);

const day = (date) => dates({ weekday: "short", day: "numeric", month: "short", timeZone: "UTC" }).format(date);
const hours = (date) => date.toISOString().slice(11, 16);

/** `07:12`, with its day where that is not the day at hand. */
function seen(date, today) {
  return date.toISOString().slice(0, 10) === today ? hours(date) : `${day(date)} ${hours(date)}`;
}

export const time = (instant, today = instant?.slice(0, 10)) => instant && seen(wall(instant), today);
export const timeUp = (instant, today = instant?.slice(0, 10)) => instant && seen(roundedUp(wall(instant)), today);

/** `29 May 2027, 07:15` */
export const moment = (instant) =>
  instant && `${dates({ day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }).format(wall(instant))}, ${instant.slice(11, 16)}`;

export const dayOf = (instant) => instant?.slice(0, 10);
const monthly = () => dates({ day: "numeric", month: "short", timeZone: "UTC" });
/** `29 May` */
export const shortDay = (instant) => monthly().format(wall(instant));
/** `29 – 31 May`, from the first to the last. */
export function shortDays(instants) {
  const all = instants.map(wall).sort((a, b) => a - b);
  return monthly().formatRange(all[0], all.at(-1));
}

/** The day that all instants share; empty if there are several, so that each is written with its own. */
export function oneDay(instants) {
  const days = new Set(instants.filter(Boolean).map(dayOf));
  return days.size === 1 ? [...days][0] : "";
}
