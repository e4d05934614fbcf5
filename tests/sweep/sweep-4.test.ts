import { sweep } from "./harness.ts";
import "./all-properties.ts";

sweep(3, 4);
