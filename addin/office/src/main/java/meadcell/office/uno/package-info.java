/** A LibreOffice that is told over UNO what to do; needs the UNO classes beside it. */
package meadcell.office.uno;
