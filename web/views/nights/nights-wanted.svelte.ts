/** Whether the reader asked for answers that need the nights: asked in one part of the page, all such parts open, and try anew together. */
class NightsWanted {
  yes = $state(false);
  /** How often the reader asked again after the database did not open. */
  retries = $state(0);
}

export const nightsWanted = new NightsWanted();
