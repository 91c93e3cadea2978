/** Whether the reader asked for answers that need the nights: asked in one part of the page, all such parts open. */
class NightsWanted {
  yes = $state(false);
}

export const nightsWanted = new NightsWanted();
