import { sweep } from "./harness.ts";
import "./all-properties.ts";

sweep(0, 4);
