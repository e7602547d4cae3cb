/** A pane of the drawer. */
export type DrawerPane = "route" | "hand" | "changes" | "band";

/** What lies over the Play screen: the drawer with its panes, or the player's patterns. */
export class PlayPanels {
  drawerOpen: boolean = $state(false);
  drawerPane: string = $state("route");
  /** The song rests while the patterns are there. */
  benchOpen: boolean = $state(false);

  get open(): boolean {
    return this.drawerOpen || this.benchOpen;
  }

  openDrawer(pane: DrawerPane): void {
    this.drawerPane = pane;
    this.drawerOpen = true;
  }

  /** The next time it opens with the route. */
  closeDrawer(): void {
    this.drawerOpen = false;
    this.drawerPane = "route";
  }

  /** From the drawer to the player's patterns, and back. */
  openBench(): void {
    this.drawerOpen = false;
    this.benchOpen = true;
  }

  closeBench(): void {
    this.benchOpen = false;
    this.openDrawer("hand");
  }
}
