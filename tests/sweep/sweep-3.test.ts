import { sweep } from "./harness.ts";
import "./all-properties.ts";

sweep(2, 4);
