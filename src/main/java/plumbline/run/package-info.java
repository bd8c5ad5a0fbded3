/**
 * In which order things happen: designs and configs are read, configs are matched with the switches
 * of the design, the audit is run, and all of it becomes one result. Imports what it runs; the only
 * place that knows both files and rules.
 */
package plumbline.run;
