import { sweep } from "./harness.ts";
import "./all-properties.ts";

sweep(1, 4);
