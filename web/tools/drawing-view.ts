/** The two views in which something can be drawn. Points are (x, y) in plan, (x, z) in the side view; mm. */
export type DrawingView = "plan" | "side";
