/** The purchase, worked out beside the page. Takes a problem and a port, and answers with the plan there. */

import { solve } from "./buy_solver.js";

addEventListener("message", (event) => event.ports[0].postMessage(solve(event.data)));
